# Two stages: build with a compiler at hand, run without one. All that is kept lives in the one mounted folder, /data.
FROM node:20.20.2-bookworm AS build
WORKDIR /app
COPY package.json package-lock.json ./
# Scripts of packages stay off but for the one that must compile.
RUN npm ci --ignore-scripts && npm rebuild better-sqlite3
COPY . .
RUN npm run build && npm prune --omit=dev --ignore-scripts

FROM node:20.20.2-bookworm-slim
WORKDIR /app
ENV NODE_ENV=production DUSKWARD_DATABASE=/data/duskward.sqlite DUSKWARD_HTTP=0.0.0.0:8080
COPY --from=build /app/package.json ./
COPY --from=build /app/node_modules ./node_modules
COPY --from=build /app/dist ./dist
RUN mkdir /data && chown node:node /data
USER node
VOLUME /data
EXPOSE 8080
HEALTHCHECK --interval=60s --timeout=5s --start-period=20s CMD ["node", "-e", "fetch('http://127.0.0.1:8080/healthz').then((answer) => process.exit(answer.ok ? 0 : 1), () => process.exit(1))"]
CMD ["node", "dist/bot/main.js", "run"]
