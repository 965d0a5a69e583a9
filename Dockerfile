# Two stages: build with a compiler at hand, run without one. State lives in the one mounted folder, /data.
FROM node:20.20.2-bookworm AS build
WORKDIR /app
COPY package.json package-lock.json ./
RUN npm ci --ignore-scripts && npm rebuild better-sqlite3
COPY . .
RUN npm run build && npm prune --omit=dev --ignore-scripts

FROM node:20.20.2-bookworm-slim
WORKDIR /app
ENV NODE_ENV=production DUSKWARD_DATABASE=/data/duskward.sqlite
COPY --from=build /app/package.json ./
COPY --from=build /app/node_modules ./node_modules
COPY --from=build /app/dist ./dist
RUN mkdir /data && chown node:node /data
USER node
VOLUME /data
CMD ["node", "dist/bot/main.js", "run"]
